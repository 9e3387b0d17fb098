import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isFile } from '../../language/generated/ast';
import { open } from '../language/services';

function kerfFiles(folder: URL): { name: string; text: string }[] {
    return readdirSync(folder)
        .filter((name) => name.endsWith('.kerf'))
        .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));
}

const stock = kerfFiles(new URL('../../language/stock/', import.meta.url));
const samples = kerfFiles(new URL('../../samples/', import.meta.url));

describe('every file of the built-in stock and of the workshop', () => {
    it.each([...stock, ...samples])('$name parses without errors', async ({ text }) => {
        const { value, lexerErrors, parserErrors } = (await open(text)).parseResult;
        expect([...lexerErrors, ...parserErrors].map(({ message }) => message)).toEqual([]);
        expect(isFile(value) && value.entries.length).toBeGreaterThan(0);
    });
});
