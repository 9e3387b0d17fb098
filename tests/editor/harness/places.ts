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

/** At the end of the title of a test that is left out when nothing else is said. */
export const AT_LENGTH = 'at length';

/** Which of a person's tests run: those of every day, the longer ones, or both. */
export type Length = 'often' | 'longer' | 'all';
