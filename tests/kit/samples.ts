import { existsSync, readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../samples/', import.meta.url);

/** The sample recipes that are as they should be. */
export const goodSamples: readonly string[] = readdirSync(folder)
    .filter((file) => file.endsWith('.kerf') && !/faulty|workshop/.test(file))
    .map((file) => file.replace('.kerf', ''));

/** A sample with all that it uses in one text, its own recipes first, and the drawings and pictures that it names. */
export function sampleText(name: string): [text: string, art: Record<string, Uint8Array>] {
    const used = new Set<string>();
    const texts: string[] = [];
    const take = (path: string): void => {
        if (used.has(path)) return;
        used.add(path);
        const text = readFileSync(new URL(path, folder), 'utf8');
        texts.push(text.replaceAll(/^use .*$/gm, ''));
        for (const [, next] of text.matchAll(/^use "([^"]+)"/gm)) take(next!);
    };
    take(`${name}.kerf`);
    const text = texts.join('\n');
    const art = [...text.matchAll(/"(art\/[^"]+)"/g)].flatMap(([, path]) => {
        const file = new URL(path!, folder);
        return existsSync(file) ? [[path!, readFileSync(file)] as const] : []; // the faulty one names a file that is not there
    });
    return [text, Object.fromEntries(art)];
}
