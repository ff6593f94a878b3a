import { deepEqual, equal } from "node:assert/strict";
import { workTimeline } from "sagbook/fabrication/work_timeline.ts";
import type { WorkLogEntry } from "sagbook/records/work_log.ts";

const work = (
  line: number,
  more: Partial<WorkLogEntry>,
): WorkLogEntry => ({ line, grade: "80", wets: 10, ...more });
const sessions = (...names: string[]) => names.map((session) => ({ session }));
const numbers = (timeline: ReturnType<typeof workTimeline>) =>
  timeline.stages.map(({ runs }) =>
    runs.map((run) => run.map(({ session, work }) => `${session} ${work}`))
  );

Deno.test("workTimeline() adds the stretches between sessions and keeps settings apart", () => {
  const timeline = workTimeline([
    work(2, { position: "mirror on top" }),
    work(3, { position: "mirror on top", wets: 6, session: "S2" }),
    work(4, { position: "tool on top", session: "S3" }),
    work(5, { position: "mirror on top", wets: 8, session: "S4" }),
    work(6, { grade: "F320", wets: 5, session: "S5" }),
    work(7, { grade: "F320", wets: 3 }),
  ], sessions("S1", "S2", "S3", "S4", "S5"));
  deepEqual(numbers(timeline), [
    [["S2 16", "S3 26"]],
    [["S1 0", "S2 16"], ["S3 26", "S4 34"]],
    [["S4 34", "S5 39"]],
  ]);
  equal(timeline.unit, "wets");
  deepEqual(timeline.after.map(({ line }) => line), [7]);
  deepEqual(timeline.notes, []);
});

Deno.test("workTimeline() takes lines dated out of order by date, and says so", () => {
  const timeline = workTimeline([
    work(2, { date: "2031-05-03", wets: 7, session: "S3" }),
    work(3, { date: "2031-05-01", wets: 5, session: "S2" }),
  ], sessions("S1", "S2", "S3"));
  deepEqual(numbers(timeline), [[["S1 0", "S2 5", "S3 12"]]]);
  deepEqual(timeline.notes, [{ kind: "dates out of order", lines: [3] }]);
});

Deno.test("workTimeline() leaves lines as they stand when one of them has no date", () => {
  const timeline = workTimeline([
    work(2, { date: "2031-05-03", wets: 7, session: "S2" }),
    work(3, { wets: 4 }),
    work(4, { date: "2031-05-01", wets: 5, session: "S3" }),
  ], sessions("S1", "S2", "S3"));
  deepEqual(numbers(timeline), [[["S1 0", "S2 7", "S3 16"]]]);
  deepEqual(timeline.notes, [{ kind: "dates out of order", lines: [4] }]);
});

Deno.test("workTimeline() places a session the log does not name by its date, or nowhere", () => {
  const entries = [
    work(2, { date: "2031-05-01", session: "S1" }),
    work(3, { date: "2031-05-02", wets: 7 }),
    work(4, { date: "2031-05-04", wets: 5, session: "S3" }),
  ];
  const dated = workTimeline(entries, [
    { session: "S1" },
    { session: "S2", takenAt: "2031-05-03T19:00" },
    { session: "S3" },
  ]);
  deepEqual(numbers(dated), [[["S1 10", "S2 17", "S3 22"]]]);
  deepEqual(dated.notes, [
    { kind: "session without work", session: "S2", placed: "by date" },
  ]);
  const undated = workTimeline(entries, sessions("S1", "S2", "S3"));
  deepEqual(numbers(undated), [[["S1 10", "S3 22"]]]);
  deepEqual(undated.notes, [
    { kind: "session without work", session: "S2", placed: "nowhere" },
  ]);
});

Deno.test("workTimeline() lets a second look without work stand at the same work", () => {
  const timeline = workTimeline([
    work(2, { date: "2031-05-01", session: "S2" }),
    work(3, { date: "2031-05-03", session: "S4" }),
  ], [
    { session: "S1", takenAt: "2031-04-30" },
    { session: "S2", takenAt: "2031-05-01" },
    { session: "S3", takenAt: "2031-05-02" },
    { session: "S4", takenAt: "2031-05-03" },
  ]);
  deepEqual(numbers(timeline), [[["S1 0", "S2 10", "S3 10", "S4 20"]]]);
  deepEqual(timeline.notes, [
    { kind: "session without work", session: "S3", placed: "by date" },
  ]);
});

Deno.test("workTimeline() places a session without name and date where no work lies around it", () => {
  const timeline = workTimeline([
    work(2, { session: "S2" }),
    work(3, { session: "S4" }),
  ], sessions("S1", "S2", "S3", "S4", "S5"));
  deepEqual(numbers(timeline), [[["S1 0", "S2 10", "S4 20", "S5 20"]]]);
  deepEqual(timeline.notes, [
    { kind: "session without work", session: "S3", placed: "nowhere" },
  ]);
});

Deno.test("workTimeline() counts work whose session has no readings toward the next", () => {
  const timeline = workTimeline([
    work(2, { session: "S2" }),
    work(3, { wets: 4, session: "lost" }),
    work(4, { wets: 6, session: "S3" }),
  ], sessions("S1", "S2", "S3"));
  deepEqual(numbers(timeline), [[["S1 0", "S2 10", "S3 20"]]]);
  deepEqual(timeline.notes, [
    { kind: "work without a session", session: "lost", line: 3 },
  ]);
});

Deno.test("workTimeline() ends a run where an amount is missing or settings mix", () => {
  const timeline = workTimeline([
    work(2, { session: "S2" }),
    { line: 3, grade: "80", session: "S3" },
    work(4, { session: "S4" }),
    work(5, {}),
    work(6, { grade: "F320", session: "S5" }),
  ], sessions("S1", "S2", "S3", "S4", "S5"));
  deepEqual(numbers(timeline), [[["S1 0", "S2 10"], ["S3 10", "S4 20"]]]);
  deepEqual(timeline.notes, [
    { kind: "no amount", line: 3 },
    { kind: "mixed settings", before: "S4", after: "S5" },
  ]);
});

Deno.test("workTimeline() counts in minutes where most lines have those alone", () => {
  const timeline = workTimeline([
    { line: 2, grade: "80", minutes: 20, session: "S2" },
    { line: 3, grade: "80", minutes: 25, wets: 5, session: "S3" },
    { line: 4, grade: "80", minutes: 15, session: "S4" },
  ], sessions("S1", "S2", "S3", "S4"));
  equal(timeline.unit, "minutes");
  deepEqual(numbers(timeline), [[["S1 0", "S2 20", "S3 45", "S4 60"]]]);
});

Deno.test("workTimeline() notes readings dated before the work that precedes them", () => {
  const { notes } = workTimeline([
    work(2, { date: "2031-05-05", session: "S1" }),
  ], [{ session: "S1", takenAt: "2031-05-04T20:00" }]);
  deepEqual(notes, [
    { kind: "session before its work", session: "S1", line: 2 },
  ]);
});

Deno.test("workTimeline() without work or without sessions says what there is", () => {
  const bare = workTimeline([], sessions("S1", "S2"));
  equal(bare.unit, undefined);
  deepEqual(bare.stages, []);
  deepEqual(bare.sessions.map(({ session }) => session), ["S1", "S2"]);
  deepEqual(bare.notes, []);
  const unread = workTimeline([work(2, {})], []);
  deepEqual(unread.before.map(({ line }) => line), [2]);
  deepEqual(unread.sessions, []);
});
