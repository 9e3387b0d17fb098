import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { phrase } from '../../shared/recipe/phrase';
import { type NamedRun, runFileName } from '../../shared/view/run-file-name';
import { CannotWrite } from './cannot-write';
import type { OpenStore } from './store';

/** The folder, in that of the recipe, that holds its runs. */
const folderOfRuns = 'runs';

/**
 * Writes a run into a file of its own, in `runs` beside the recipe.
 * @param textAt the text of the run in a file at that place; undefined where there is none
 * @returns undefined where there is no text
 * @throws CannotWrite where nothing may be written
 */
export async function writeRun(
    document: LangiumDocument,
    run: NamedRun,
    openStore: OpenStore,
    textAt: (place: URI) => string | undefined,
): Promise<{ readonly uri: string; readonly text: string } | undefined> {
    const folder = UriUtils.dirname(document.uri);
    const store = openStore(folder.toString());
    for (let tries = 0; tries < 8; tries++) {
        const path = `${folderOfRuns}/${runFileName(run, crypto.getRandomValues(new Uint8Array(5)))}`;
        const place = UriUtils.joinPath(folder, path);
        const text = textAt(place);
        if (text === undefined) return undefined;
        if ((await store.look(path)).kind !== 'missing') continue;
        await store.replace(new Map([[path, new TextEncoder().encode(text)]]));
        return { uri: place.toString(), text };
    }
    throw new CannotWrite(phrase`No free name was found for the run in ${folderOfRuns}. Try it again.`);
}

/**
 * Puts a run that was written elsewhere beside the others, under the name that it brought along. The same a second time changes nothing.
 * @param name as `runFileName` makes it
 * @throws CannotWrite where nothing may be written, or another run has that name
 */
export async function takeRun(
    document: LangiumDocument,
    name: string,
    openStore: OpenStore,
    textAt: (place: URI) => string | undefined,
): Promise<{ readonly uri: string; readonly text: string; readonly known?: true } | undefined> {
    const folder = UriUtils.dirname(document.uri);
    const path = `${folderOfRuns}/${name}`;
    const place = UriUtils.joinPath(folder, path);
    const text = textAt(place);
    if (text === undefined) return undefined;
    const store = openStore(folder.toString());
    const bytes = new TextEncoder().encode(text);
    const there = await store.look(path);
    if (there.kind === 'file' && new TextDecoder().decode(there.bytes) === text)
        return { uri: place.toString(), text, known: true };
    if (there.kind !== 'missing')
        throw new CannotWrite(
            phrase`${path} is there already and says something else. Rename the one that you take in, or look at what was changed there.`,
        );
    await store.replace(new Map([[path, bytes]]));
    return { uri: place.toString(), text };
}
