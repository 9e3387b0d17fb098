import { fileURLToPath } from 'node:url';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export const places = {
    root: at('../../..'),
    editorTests: at('..'),
    codeServer: at('../node_modules/code-server/out/node/entry.js'),
    samples: at('../../../samples'),
    shots: at('../shots'),
    out: at('../out'),
};
