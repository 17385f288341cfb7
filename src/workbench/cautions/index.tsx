export { CautionsNote } from './cautions-note';
export { StoryNote } from './story-note';
