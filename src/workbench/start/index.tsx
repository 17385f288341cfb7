export { StartDialog, type StartDialogProps } from './start-dialog';
