/** What a study module exports as `study`, for `*_study.ts` of this folder. */
export {
  ALLOWED_ERRORS,
  errorAt,
  holds,
  pooled,
  slackAt,
  type Study,
  type StudyRow,
} from "sagbook/tasks/_study.ts";
