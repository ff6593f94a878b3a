# Fits a mixed model with lme4 and tells it as JSON: data, formula, runs.
# Answer: variances by the factors' order in the formula, residual, coefficients,
# at the optimum that tighter settings reach; the times are of the defaults.
arguments <- commandArgs(trailingOnly = TRUE)
if (!suppressMessages(require(lme4, quietly = TRUE))) {
  cat('{"missing": "lme4"}\n')
  quit(status = 0)
}
d <- read.csv(arguments[1])
for (name in names(d)) if (name != "y" && name != "zone") d[[name]] <- factor(d[[name]])
if ("zone" %in% names(d)) d$zone <- factor(d$zone, levels = c("centre", "half", "edge"))
f <- as.formula(arguments[2])
quiet <- function(x) suppressWarnings(suppressMessages(x))
times <- numeric(0)
for (i in 1:as.integer(arguments[3])) {
  gc()
  times <- c(times, 1000 * system.time(fit <- quiet(lmer(f, d, REML = TRUE)))[["elapsed"]])
}
status <- tryCatch(readLines("/proc/self/status"), error = function(e) character(0))
peak <- grep("^VmHWM", status, value = TRUE)
peak <- if (length(peak) == 1) as.numeric(gsub("[^0-9]", "", peak)) / 1024 else 0
# The default stops early; these settings go on to the optimum.
exact <- quiet(lmer(f, d, REML = TRUE, start = getME(fit, "theta"),
  control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 1e-3, rhoend = 1e-9), calc.derivs = FALSE)))
v <- as.data.frame(VarCorr(exact))
named <- setNames(v$vcov, v$grp)
order <- c(strsplit(arguments[4], ",")[[1]], "Residual")
list_of <- function(x) paste0("[", paste(sprintf("%.17g", x), collapse = ","), "]")
cat(sprintf('{"times": %s, "peak": %.17g, "answer": %s, "version": "%s"}\n',
  list_of(times), peak, list_of(c(named[order], fixef(exact))), packageVersion("lme4")))
