/** Grey, as no wood is: what is not known is not to look like oak. */
export const unknownWood = { colour: '#b4b4b2', burnt: '#4d4d4c' } as const;
