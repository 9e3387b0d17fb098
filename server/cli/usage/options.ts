/** What options are made of, in every usage. */
export const flag = (what: string) => ({ type: 'boolean', default: false, what }) as const;
export const word = (value: string, what: string) => ({ type: 'string', value, what }) as const;

export const format = <const Words extends readonly string[]>(choices: Words) =>
    ({ type: 'string', default: 'text', value: 'FORMAT', choices, what: 'How it is written.' }) as const;
