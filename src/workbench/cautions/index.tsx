export { CautionsNote, SpotCautions } from './cautions-note';
export { OptionCautions } from './option-cautions';
export { StoryNote } from './story-note';
