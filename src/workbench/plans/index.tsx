export { FileDrop } from './file-drop';
export { KeepingSign } from './keeping-sign';
export { openPlan } from './opening';
export { useSharedLink } from './shared-link';
