import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { LangiumDocument } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Workshop } from '../workshop/workshop';
import { DiskStore } from '../writing/disk-store';
import { shortPath } from './all-findings';
import { plural } from './formats/check-report';
import { openFiles } from './open-files';
import { say, sayLine } from './say';
import { readArgs } from './usage/read-args';
import { formatUsage } from './usage/usages';
import { UsageError } from './usage-error';

/** `kerfbook format`: lays recipes out as the editor does; only blanks, line breaks and the order of clauses change. */
export async function format(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(formatUsage, args);
    const { check, write } = values;
    if (check && write) throw new UsageError('Say --check or --write, not both.');
    const { workshop, documents, files } = await openFiles(positionals, values.as);
    if (!check && !write) {
        const [only, ...more] = documents;
        if (only === undefined || more.length > 0)
            throw new UsageError('Without --check or --write one file is laid out, onto standard output.');
        say(laidOut(workshop, only));
        return 0;
    }
    let count = 0;
    for (const document of documents) {
        const now = laidOut(workshop, document);
        if (now === document.textDocument.getText()) continue;
        count += 1;
        sayLine(shortPath(document));
        if (check) continue;
        const file = fileURLToPath(document.uri.toString());
        const bytes = new TextEncoder().encode(now);
        await new DiskStore(path.dirname(file), files.folders).replace(new Map([[path.basename(file), bytes]]));
    }
    const done = check ? 'not laid out' : 'laid out';
    sayLine(count === 0 ? 'All is laid out.' : `${plural(count, 'file')} ${done}.`);
    return check && count > 0 ? 1 : 0;
}

function laidOut({ services }: Workshop, document: LangiumDocument): string {
    const { textDocument } = document;
    const edits = services.lsp.Formatter?.formatDocument(document, {
        textDocument: { uri: textDocument.uri },
        options: { tabSize: 2, insertSpaces: true },
    });
    return TextDocument.applyEdits(textDocument, [...((edits ?? []) as Parameters<typeof TextDocument.applyEdits>[1])]);
}
