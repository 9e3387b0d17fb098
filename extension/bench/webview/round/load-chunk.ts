import type { RoundChunk } from './scene';

/** Where the chunk leaves what it offers; see the bundles. */
interface WithRound {
    kerfbookRound?: RoundChunk;
}

const own = document.currentScript;
let loading: Promise<RoundChunk> | undefined;

/** The chunk beside this page's own script, read once, under the nonce that this one came with. @throws where it cannot be read */
export function loadRoundChunk(): Promise<RoundChunk> {
    loading ??= new Promise<RoundChunk>((resolve, reject) => {
        if (!(own instanceof HTMLScriptElement)) throw new Error('The page does not know its own script.');
        const script = document.createElement('script');
        script.nonce = own.nonce;
        script.src = new URL('round.js', own.src).href;
        script.onload = () => {
            const { kerfbookRound } = globalThis as WithRound;
            if (kerfbookRound === undefined) reject(new Error('What draws it could not be read.'));
            else resolve(kerfbookRound);
        };
        script.onerror = () => {
            loading = undefined;
            reject(new Error('What draws it could not be loaded.'));
        };
        document.head.append(script);
    });
    return loading;
}
