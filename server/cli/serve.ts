import path from 'node:path';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { inOrder } from '../protocol/message-order';
import { serveNode } from '../serve-node';

/** `kerfbook serve`: the language server over standard input and output, for any editor. Runs until its client goes. */
export async function serve(): Promise<number> {
    serveNode(
        createConnection(ProposedFeatures.all, process.stdin, process.stdout, inOrder()),
        path.join(__dirname, 'worker.cjs'),
    );
    await new Promise((resolve) => process.stdin.once('close', resolve));
    return 0;
}
