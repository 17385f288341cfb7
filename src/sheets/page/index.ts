export type { Block, PageBlock, PieceBlock, TableBlock, Told } from './blocks';
export { Flow } from './flow';
export { heading, paragraphs, piece } from './pieces';
export { contentBox, PAGE_SIZES } from './sizes';
