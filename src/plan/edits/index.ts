/** Every change of a plan, as a recipe for the plan store's edit and moveGesture. */
export * from './add-speaker';
export * from './cabin';
export * from './change-sound';
export * from './change-speaker';
export * from './measured';
export { aimSpeaker, mountSpeaker, placeSpeakerAt } from './move-speaker';
export * from './obstacles';
export * from './options';
export * from './pairing';
export * from './pockets';
export { isTied, type PlanRecipe } from './recipe';
export * from './rings';
export * from './seats';
export * from './take-found';
export * from './whole';
