/** Colours of which a resin can be written, sRGB: our own, by eye. */
export const fillColours = {
    blue: '#1d5f7a',
    green: '#2f6b4a',
    red: '#8f3a24',
    ochre: '#b98a2f',
    white: '#e4ebe4',
    black: '#22211f',
} as const;
