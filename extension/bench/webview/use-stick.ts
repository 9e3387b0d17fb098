import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

/** Below the line of contents. */
const AIR = 44; // px

const FOOT = 12; // px

/**
 * Keeps an element in sight while a longer one beside it scrolls by: by its upper edge where it fits the
 * window, else by its lower one, so that all of it comes by.
 */
export function useStick(element: RefObject<HTMLElement | null>): void {
    useLayoutEffect(() => {
        const target = element.current;
        if (target === null) return;
        const place = () => target.style.setProperty('top', `${Math.min(AIR, innerHeight - target.offsetHeight - FOOT)}px`);
        const observer = new ResizeObserver(place);
        observer.observe(target);
        addEventListener('resize', place);
        return () => {
            observer.disconnect();
            removeEventListener('resize', place);
        };
    }, [element]);
}
