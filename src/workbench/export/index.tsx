export { ExportDialog, type ExportDialogProps } from './export-dialog';
