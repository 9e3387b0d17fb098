import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../samples/', import.meta.url);

/** The sample recipes that are as they should be. */
export const goodSamples: readonly string[] = readdirSync(folder)
    .filter((file) => file.endsWith('.kerf') && !/faulty|workshop/.test(file))
    .map((file) => file.replace('.kerf', ''));

/** A sample with its stock in one text, and the drawings that it names. */
export function sampleText(name: string): [text: string, art: Record<string, string>] {
    const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
    const text = read(`${name}.kerf`).replace('use "workshop.kerf"', read('workshop.kerf'));
    const art = [...text.matchAll(/"(art\/[^"]+\.svg)"/g)].map(([, path]) => [path!, read(path!)] as const);
    return [text, Object.fromEntries(art)];
}
