export { FileDrop } from './file-drop';
export { KeepingBanner } from './keeping-banner';
export { KeepingSign } from './keeping-sign';
export { openPlan } from './opening';
export { useSharedLink } from './shared-link';
