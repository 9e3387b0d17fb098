import { phrase } from '../../shared/recipe/phrase';
import { type Manifest, manifestName, printManifest, readManifest } from '../../shared/sheets/manifest';
import type { BuiltFile } from '../../shared/view/protocol';
import { CannotWrite } from './cannot-write';
import type { Store } from './store';

/** Whose files they are: of what, and the path from their folder to the file in which that stands. */
export type Owner = Pick<Manifest, 'of' | 'from'>;

export interface WritingWish {
    /** Also over what was changed by hand, and over the files of another owner. */
    readonly force?: boolean;
    /** Takes away what an earlier writing left and this one no longer writes. */
    readonly clean?: boolean;
    /** Nothing is changed; what would be is told. */
    readonly dryRun?: boolean;
    /** Whether another owner is still there. Without it, one is taken to be. */
    readonly owns?: (owner: Owner) => Promise<boolean>;
}

export interface WritingReport {
    /** What lies there new, or as it was where nothing differed. Paths are the folder's. */
    readonly written: readonly { readonly path: string; readonly note: string; readonly state: 'new' | 'changed' | 'same' }[];
    /** Changed by hand: it is left as it is, and the new one lies beside it. */
    readonly beside: readonly { readonly path: string; readonly beside: string }[];
    /** Filled in by hand: it is left as it is. */
    readonly filledIn: readonly string[];
    /** Files of an earlier writing that are no longer written. */
    readonly stale: readonly string[];
    /** Of those, what was changed by hand: it is never taken away. */
    readonly staleByHand: readonly string[];
    readonly removed: readonly string[];
}

/**
 * Writes the files of one owner into a folder, all or none. Nothing is lost that a person has put there since: what was changed by hand,
 * and what was never ours, stays, and the new file is written beside it.
 *
 * @throws CannotWrite with nothing changed
 */
export async function writeMade(
    store: Store,
    owner: Owner,
    files: readonly BuiltFile[],
    { force = false, clean = false, dryRun = false, owns = async () => true }: WritingWish = {},
): Promise<WritingReport> {
    const before = await manifestIn(store);
    if (before !== undefined && !isSame(before, owner) && !force && (await owns(before))) {
        throw new CannotWrite(
            phrase`${owner.of} is not written: its folder holds the files of ${before.of} in ${before.from}. Rename one of the two, or write them into different folders.`,
        );
    }
    const hashes = new Map<string, string>();
    const puts = new Map<string, Uint8Array>();
    const report = { written: [] as WritingReport['written'][number][], beside: [] as WritingReport['beside'][number][] };
    const filledIn: string[] = [];

    const put = async (path: string, file: BuiltFile, bytes: Uint8Array, there: string | undefined): Promise<void> => {
        const hash = await hashOf(bytes);
        hashes.set(path, hash);
        if (there !== hash) puts.set(path, bytes);
        report.written.push({ path, note: file.note, state: there === undefined ? 'new' : there === hash ? 'same' : 'changed' });
    };
    const take = async (file: BuiltFile): Promise<void> => {
        const bytes = new TextEncoder().encode(file.text);
        const there = await hashAt(store, file.path);
        const ours = before?.hashes.get(file.path);
        if (there === undefined || force || there === ours || there === (await hashOf(bytes)))
            return put(file.path, file, bytes, there);
        if (ours !== undefined) hashes.set(file.path, ours);
        if (file.fillIn === true) {
            filledIn.push(file.path);
            return;
        }
        const beside = await freeName(store, before, file.path, await hashOf(bytes));
        await put(beside, file, bytes, await hashAt(store, beside));
        report.beside.push({ path: file.path, beside });
    };
    for (const file of files) await take(file);

    const left = await leftOver(store, before, new Set(hashes.keys()));
    for (const [path, hash] of [...left.stale, ...left.byHand]) if (!clean || left.byHand.has(path)) hashes.set(path, hash);
    if (!dryRun) {
        const manifest = new TextEncoder().encode(printManifest({ ...owner, hashes }));
        if ((await hashAt(store, manifestName)) !== (await hashOf(manifest))) puts.set(manifestName, manifest);
        if (puts.size > 0) await store.replace(puts);
        if (clean) await store.remove([...left.stale.keys()]);
    }
    return {
        ...report,
        filledIn,
        stale: clean ? [] : [...left.stale.keys()],
        staleByHand: [...left.byHand.keys()],
        removed: clean ? [...left.stale.keys()] : [],
    };
}

/** What an earlier writing left in a folder of which nothing is written any more. @param clean takes away what is ours alone */
export async function leftIn(
    store: Store,
    { clean = false, dryRun = false }: WritingWish,
): Promise<Pick<WritingReport, 'stale' | 'staleByHand' | 'removed'>> {
    const left = await leftOver(store, await manifestIn(store), new Set());
    const stale = [...left.stale.keys()];
    const staleByHand = [...left.byHand.keys()];
    if (clean && !dryRun) await store.remove([...stale, ...(staleByHand.length === 0 ? [manifestName] : [])]);
    return { stale: clean ? [] : stale, staleByHand, removed: clean ? stale : [] };
}

/** Undefined where there is none that can be read. */
export async function manifestIn(store: Store): Promise<Manifest | undefined> {
    const found = await store.look(manifestName);
    return found.kind === 'file' ? readManifest(new TextDecoder().decode(found.bytes)) : undefined;
}

function isSame(a: Owner, b: Owner): boolean {
    return a.of === b.of && a.from === b.from;
}

/** What the manifest names, is still there and is not written any more; by hand where it is no longer what was written. */
async function leftOver(
    store: Store,
    before: Manifest | undefined,
    now: ReadonlySet<string>,
): Promise<{ stale: Map<string, string>; byHand: Map<string, string> }> {
    const stale = new Map<string, string>();
    const byHand = new Map<string, string>();
    for (const [path, hash] of before?.hashes ?? []) {
        if (now.has(path)) continue;
        const there = await hashAt(store, path);
        if (there !== undefined) (there === hash ? stale : byHand).set(path, hash);
    }
    return { stale, byHand };
}

/** `setup-1.new.ngc` beside `setup-1.ngc`, or with a number where somebody has changed that one too. */
async function freeName(store: Store, before: Manifest | undefined, path: string, hash: string): Promise<string> {
    const dot = path.lastIndexOf('.');
    for (let count = 1; ; count += 1) {
        const name = `${path.slice(0, dot)}.new${count === 1 ? '' : `-${count}`}${path.slice(dot)}`;
        const there = await hashAt(store, name);
        if (there === undefined || there === hash || there === before?.hashes.get(name)) return name;
    }
}

/** Undefined where nothing lies, or a link, which gives way. */
async function hashAt(store: Store, path: string): Promise<string | undefined> {
    const found = await store.look(path);
    return found.kind === 'file' ? hashOf(found.bytes) : undefined;
}

/** SHA-256 of a text's bytes as 64 hex digits. Line ends that git has changed on its way are no change by hand. */
async function hashOf(bytes: Uint8Array): Promise<string> {
    const plain = bytes.includes(13) ? bytes.filter((byte, index) => byte !== 13 || bytes[index + 1] !== 10) : bytes;
    const digest = await crypto.subtle.digest('SHA-256', plain as Uint8Array<ArrayBuffer>);
    return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
