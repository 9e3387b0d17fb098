import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** At which ends of a row that scrolls there is more than can be seen. */
export interface Overflow {
    readonly before: boolean;
    readonly after: boolean;
}

const none: Overflow = { before: false, after: false };

/** @param content changes whenever the row holds something else */
export function useOverflow(row: RefObject<HTMLElement | null>, content: unknown): Overflow {
    const [overflow, setOverflow] = useState(none);
    useLayoutEffect(() => {
        const element = row.current;
        if (element === null) return;
        const look = () => {
            const { scrollLeft, scrollWidth, clientWidth } = element;
            const before = scrollLeft > 1;
            const after = scrollLeft + clientWidth < scrollWidth - 1;
            setOverflow((known) => (known.before === before && known.after === after ? known : { before, after }));
        };
        look();
        const observer = new ResizeObserver(look);
        observer.observe(element);
        element.addEventListener('scroll', look, { passive: true });
        return () => {
            observer.disconnect();
            element.removeEventListener('scroll', look);
        };
    }, [row, content]);
    return overflow;
}
