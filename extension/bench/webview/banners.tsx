import { useEffect, useState } from 'preact/hooks';
import { Message } from './notes/message';
import type { BenchState } from './state';

/** ms that a text has to be broken before that is worth a word: while somebody types it mostly is. */
const WORTH_A_WORD = 700;

/** Says that the picture is not of the whole text as it is now, and why nothing was written; tells it to those who do not see it. */
export function Banners({ state, stale }: { state: BenchState; stale: string | undefined }) {
    const text =
        state.trouble !== undefined
            ? `The picture is of the last text that could be read. ${state.trouble}`
            : stale !== undefined
              ? `The text is broken, and the picture is of what could be read of it. ${stale}`
              : undefined;
    const lasting = useLasting(text);
    return (
        <>
            <div role="status" class={lasting === undefined ? 'banner none' : 'banner'}>
                <Message text={lasting ?? ''} />
            </div>
            <div role="alert" class={state.refused === undefined ? 'banner none' : 'banner'}>
                <Message text={state.refused ?? ''} />
            </div>
        </>
    );
}

/** The text once there has been one for a while; gone at once. */
function useLasting(text: string | undefined): string | undefined {
    const [isLasting, setLasting] = useState(false);
    const isThere = text !== undefined;
    useEffect(() => {
        setLasting(false);
        if (!isThere) return;
        const timer = setTimeout(() => setLasting(true), WORTH_A_WORD);
        return () => clearTimeout(timer);
    }, [isThere]);
    return isLasting ? text : undefined;
}
