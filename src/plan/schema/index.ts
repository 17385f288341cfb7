/** Plan files in and out. */
export { MAX_FILE_BYTES } from './decode-text';
export { formatRefusal } from './json-path';
export { CURRENT_VERSION, FORMAT, UNTITLED } from './plan-schema';
export {
  type ReadOptions,
  type ReadPlan,
  type ReadPlanAnswer,
  type RefusedPlan,
  readPlan,
  readPlanData,
} from './read-plan';
export {
  checkSearchRequest,
  type ReadRequestAnswer,
  readSearchRequest,
} from './search-request';
export { safeFileName, writePlan } from './write-plan';
