import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { upgradeEdits } from '../../language/editing/upgrade';
import { isNewer } from '../../language/edition';
import { DiskStore } from '../writing/disk-store';
import { shortPath } from './all-findings';
import { plural } from './formats/check-report';
import { openFiles } from './open-files';
import { sayLine } from './say';
import { readArgs } from './usage/read-args';
import { upgradeUsage } from './usage/usages';

/**
 * `kerfbook upgrade`: words of earlier editions are written as they are spelled today; nothing else of a file changes.
 * With --dry-run only said. Files of a later edition are left alone. Exit code 0.
 */
export async function upgrade(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(upgradeUsage, args);
    const isDry = values['dry-run'];
    const { documents, files } = await openFiles(positionals);
    let count = 0;
    for (const document of documents) {
        const name = shortPath(document);
        if (isNewer(document)) {
            sayLine(`${name}: written for a later edition, left alone`);
            continue;
        }
        const edits = upgradeEdits(document);
        if (edits.length === 0) continue;
        count += 1;
        const text = document.textDocument.getText();
        for (const { offset, length, text: now } of edits) {
            const { line } = document.textDocument.positionAt(offset);
            sayLine(`${name}:${line + 1}: ${text.slice(offset, offset + length)} → ${now}`);
        }
        if (isDry) continue;
        const file = fileURLToPath(document.uri.toString());
        const bytes = new TextEncoder().encode(rewritten(text, edits));
        await new DiskStore(path.dirname(file), files.folders).replace(new Map([[path.basename(file), bytes]]));
    }
    sayLine(count === 0 ? 'Nothing to rewrite.' : `${isDry ? 'Would rewrite' : 'Rewrote'} ${plural(count, 'file')}.`);
    return 0;
}

function rewritten(text: string, edits: ReturnType<typeof upgradeEdits>): string {
    let out = text;
    for (const edit of edits.toReversed())
        out = `${out.slice(0, edit.offset)}${edit.text}${out.slice(edit.offset + edit.length)}`;
    return out;
}
