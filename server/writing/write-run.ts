import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { phrase } from '../../shared/recipe/phrase';
import { CannotWrite } from './cannot-write';
import type { OpenStore } from './store';

/** The folder, in that of the recipe, that holds its runs. */
const folderOfRuns = 'runs';

interface NamedRun {
    readonly recipe: string;
    /** ISO 8601. */
    readonly date: string;
}

/**
 * Writes a run into a file of its own, `runs/2026-11-28-heron-tray-k7f3.kerf`. The end of the name is drawn at random, so that a second run
 * of the day, and one that is written on another branch, each have a file of their own and merge without anybody's help.
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
        const path = `${folderOfRuns}/${nameOf(run)}`;
        const place = UriUtils.joinPath(folder, path);
        const text = textAt(place);
        if (text === undefined) return undefined;
        if ((await store.look(path)).kind !== 'missing') continue;
        await store.replace(new Map([[path, new TextEncoder().encode(text)]]));
        return { uri: place.toString(), text };
    }
    throw new CannotWrite(phrase`No free name was found for the run in ${folderOfRuns}. Try it again.`);
}

function nameOf({ recipe, date }: NamedRun): string {
    const words = recipe
        .normalize('NFC')
        .replaceAll(/[^\p{L}\p{N}-]+/gu, '-')
        .slice(0, 60);
    return `${date}-${words}-${drawn()}.kerf`;
}

/** Letters and digits that are not taken for one another, all that every file system tells apart. */
const alphabet = 'abcdefghjkmnpqrstuvwxyz23456789';

function drawn(): string {
    return [...crypto.getRandomValues(new Uint8Array(5))].map((byte) => alphabet[byte % alphabet.length]).join('');
}
