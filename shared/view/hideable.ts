/** What can be left out of a picture of the piece, to see what is below it. */
export const hideable = ['char', 'fill', 'veneer', 'tape', 'coat'] as const;
export type Hideable = (typeof hideable)[number];
