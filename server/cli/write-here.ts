import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type LangiumDocument, type URI, UriUtils } from 'langium';
import { folderKey } from '../../shared/sheets/made-folder';
import type { BuiltFile } from '../../shared/view/protocol';
import { diskReader } from '../files/disk-reader';
import { realFolder } from '../files/real-folder';
import type { WorkspaceFiles } from '../files/workspace-files';
import { DiskStore } from '../writing/disk-store';
import { type MadePlace, stillOwns } from '../writing/made-of';
import { optionWays, tellReport } from '../writing/tell-report';
import { leftIn, manifestIn, type WritingReport, type WritingWish, writeMade } from '../writing/write-made';
import { complain, sayLine } from './say';

/** Where the command line may read, and below which folder it was told to write, if not there. */
export interface Reach {
    readonly files: WorkspaceFiles;
    readonly out: string | undefined;
}

/** Writes files into their folder, or with a dry run only looks; says each, and what was kept. @throws CannotWrite */
export async function writeHere(place: MadePlace, files: readonly BuiltFile[], reach: Reach, wish: WritingWish): Promise<void> {
    const report = await writeMade(await storeOf(place.folder, reach), place.owner, files, {
        ...wish,
        owns: (owner) => stillOwns(owner, place.folder, diskReader(reach.files)),
    });
    sayReport(report, place.folder, wish);
}

/** Folders beside a file that hold what was written of a recipe which no longer stands in it. */
export async function tellLeftBehind(
    document: LangiumDocument,
    known: readonly MadePlace[],
    reach: Reach,
    wish: WritingWish,
    below = UriUtils.joinPath(document.uri, '..', 'made'),
): Promise<void> {
    const names = await readdir(fileURLToPath(below.toString()), { withFileTypes: true }).catch(() => []);
    const taken = new Set(known.map(({ folder }) => folderKey(folder.path)));
    for (const name of names.filter((each) => each.isDirectory()).map((each) => each.name)) {
        const folder = UriUtils.joinPath(below, name);
        if (taken.has(folderKey(folder.path))) continue;
        const store = await storeOf(folder, reach);
        const manifest = await manifestIn(store).catch(() => undefined);
        if (manifest === undefined || !manifest.of.startsWith('recipe ')) continue;
        const source = UriUtils.joinPath(folder, manifest.from);
        if (!UriUtils.equals(source, document.uri) || (await stillOwns(manifest, folder, diskReader(reach.files)))) continue;
        sayReport({ written: [], ...(await leftIn(store, wish)) }, folder, wish);
    }
}

async function storeOf(folder: URI, { files, out }: Reach): Promise<DiskStore> {
    return new DiskStore(fileURLToPath(folder.toString()), out === undefined ? files.folders : [await realFolder(out)]);
}

function sayReport(
    report: Pick<WritingReport, 'written' | 'stale' | 'staleByHand' | 'removed'> & Partial<WritingReport>,
    folder: URI,
    { dryRun = false }: WritingWish,
): void {
    const shown = (name: string): string =>
        path.relative(process.cwd(), path.join(fileURLToPath(folder.toString()), ...name.split('/')));
    const would = dryRun ? 'would be ' : '';
    const states = { new: 'written', changed: 'written over', same: 'the same' };
    for (const { path: name, note, state } of report.written)
        sayLine(
            dryRun ? `${shown(name)}  (${state === 'same' ? states.same : would + states[state]})` : `${shown(name)}  (${note})`,
        );
    for (const name of report.removed) sayLine(`${shown(name)}  (${would}taken away)`);
    for (const line of tellReport(report, shown, optionWays)) complain(line);
}
