export { FileDrop } from './file-drop';
export { KeepingBanner } from './keeping-banner';
export { PlansDialog, type PlansDialogProps } from './plans-dialog';
