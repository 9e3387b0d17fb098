import abrasives from './stock/abrasives.kerf';
import beams from './stock/beams.kerf';
import finishes from './stock/finishes.kerf';
import glues from './stock/glues.kerf';
import masks from './stock/masks.kerf';
import resins from './stock/resins.kerf';
import sealers from './stock/sealers.kerf';
import woods from './stock/woods.kerf';

/** Stock that every recipe can name without `use`; it is written in the language and travels inside the program. */
export const builtInScheme = 'kerfbook-stock';

const texts: ReadonlyMap<string, string> = new Map(
    Object.entries({ woods, abrasives, beams, resins, sealers, glues, finishes, masks }).map(([name, text]) => [
        `${builtInScheme}:/${name}.kerf`,
        text,
    ]),
);

export const builtInUris: readonly string[] = [...texts.keys()];

/** The text of a built-in stock file such as `kerfbook-stock:/woods.kerf`; undefined for any other URI. */
export function builtInText(uri: string): string | undefined {
    return texts.get(uri);
}

export function isBuiltIn(uri: string): boolean {
    return texts.has(uri);
}
