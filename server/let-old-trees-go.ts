import { getHeapStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { type DocumentBuilder, DocumentState } from 'langium';

/** Below this nothing is done, bytes: most workspaces never come near it. */
const ENOUGH = 120e6;
/** So many times what the last collection left may pile up. */
const GROWTH = 1.15;

/**
 * Collects what an edit of a very large text leaves. Such a text's tree is tens of megabytes, and the one before it is garbage as soon as
 * names are linked; the engine, left to itself, waits until several of them lie about. This is the moment at which least is alive.
 */
export function letOldTreesGo(builder: DocumentBuilder): void {
    const collect = collector();
    if (collect === undefined) return;
    let left = ENOUGH / GROWTH;
    const look = (): void => {
        if (used() < Math.max(ENOUGH, GROWTH * left)) return;
        collect();
        left = used();
    };
    // What the answers about the last text left is let go of before the next tree is made beside the old one.
    builder.onUpdate(look);
    builder.onBuildPhase(DocumentState.Linked, look);
}

function used(): number {
    return getHeapStatistics().used_heap_size;
}

/** The Node inside a desktop editor may have closed its flags by now: there the extension says it as the server is started. */
function collector(): (() => void) | undefined {
    if (globalThis.gc !== undefined) return () => void globalThis.gc?.();
    if (process.versions.electron !== undefined) return undefined;
    setFlagsFromString('--expose-gc');
    const found: unknown = runInNewContext('globalThis.gc');
    return typeof found === 'function' ? () => void found() : undefined;
}
