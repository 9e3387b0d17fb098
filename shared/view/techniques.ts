/** Techniques as the command line names them. */
export const techniques = ['engraving', 'filled', 'inlay', 'picture'] as const;
export type Technique = (typeof techniques)[number];
