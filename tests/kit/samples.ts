import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../samples/', import.meta.url);

/** The sample recipes that are as they should be. */
export const goodSamples: readonly string[] = readdirSync(folder)
    .filter((file) => file.endsWith('.kerf') && !/faulty|workshop/.test(file))
    .map((file) => file.replace('.kerf', ''));

/** A sample with its stock in one text, and the drawings and pictures that it names. */
export function sampleText(name: string): [text: string, art: Record<string, Uint8Array>] {
    const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
    const text = read(`${name}.kerf`).replace('use "workshop.kerf"', read('workshop.kerf'));
    const art = [...text.matchAll(/"(art\/[^"]+)"/g)].map(([, path]) => [path!, readFileSync(new URL(path!, folder))] as const);
    return [text, Object.fromEntries(art)];
}
