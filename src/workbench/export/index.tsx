export { ExportDialog, type ExportDialogProps } from './export-dialog';
export { fileName } from './file-name';
