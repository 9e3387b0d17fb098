/** Loaded when a piece is first looked at in the round: three.js and what draws with it. */
export { createStill } from './still';
export { createViewer } from './viewer';
