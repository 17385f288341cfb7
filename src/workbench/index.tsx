/** What stands around the scene: lists, fields, tables, charts. */
import './styles/index.css';

export { Workbench } from './layout/workbench';
export { Boundary } from './parts/boundary';
