import { expect, it } from 'vitest';
import { chooseFormat } from '../../server/cli/choose-format';

it('takes what there is, and nothing that every object has by itself', () => {
    const formats = { text: 1, json: 2 };
    expect(chooseFormat(formats, 'json')).toBe(2);
    for (const asked of ['yaml', 'constructor', 'toString', '__proto__', ''])
        expect(() => chooseFormat(formats, asked)).toThrow('--format is one of text, json.');
});
