import { useEffect, useRef, useState } from 'preact/hooks';
import { whenRefused } from '../editor-link';

/** ms after the last arrow key until it is written: a row of keys is one change. */
const REST = 500;

export interface Moved<T> {
    /** Where it is now: as the text says, or as it has been moved and not yet written. */
    readonly at: T;
    readonly isMoved: boolean;
    /** Shows it elsewhere. */
    readonly show: (to: T) => void;
    /** Shows it elsewhere, and writes that once no further key comes. */
    readonly nudge: (to: T) => void;
    /** Writes where it has come to rest, if that is elsewhere. */
    readonly settle: (to: T) => void;
    /** Back to what the text says. */
    readonly leave: () => void;
}

/**
 * Something in the picture that the text places, and that is moved by hand. It stays where it was put until the
 * text says so too, or has refused it.
 * @param said what the text says
 * @param words how a place would be written
 */
export function useMoved<T>(said: T, words: (at: T) => string, write: (text: string) => void): Moved<T> {
    const [moved, setMoved] = useState<T>();
    const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
    // What is written goes into the text of that moment, not of the moment of the key.
    const latest = useRef({ said, write });
    latest.current = { said, write };

    /** What was written last has neither been taken nor refused yet; where it came to rest meanwhile. */
    const sent = useRef<{ after?: { readonly to: T } } | undefined>(undefined);

    const stop = () => {
        clearTimeout(timer.current);
        timer.current = undefined;
    };
    const leave = () => {
        stop();
        sent.current = undefined;
        setMoved(undefined);
    };
    const settle = (to: T) => {
        stop();
        if (sent.current !== undefined) {
            sent.current.after = { to };
        } else if (words(to) === words(latest.current.said)) {
            setMoved(undefined);
        } else {
            sent.current = {};
            latest.current.write(words(to));
        }
    };
    // The text has taken it, or says something else by now; what came meanwhile still counts.
    useEffect(() => {
        const after = sent.current?.after;
        sent.current = undefined;
        if (after !== undefined) settle(after.to);
        else if (timer.current === undefined) setMoved(undefined);
    }, [words(said)]);
    useEffect(() => whenRefused(leave), []);
    useEffect(() => stop, []);
    return {
        at: moved ?? said,
        isMoved: moved !== undefined,
        show: (to) => setMoved(() => to),
        nudge: (to) => {
            setMoved(() => to);
            stop();
            timer.current = setTimeout(() => settle(to), REST);
        },
        settle,
        leave,
    };
}
