import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import type { Size } from './picture/zoom';

/** The size of an element in px, kept up to date. */
export function useSize(element: RefObject<Element | null>): Size {
    const [size, setSize] = useState<Size>({ width: 640, height: 360 });
    useLayoutEffect(() => {
        const target = element.current;
        if (target === null) return;
        const measure = () => {
            const { width, height } = target.getBoundingClientRect();
            if (width > 0 && height > 0) setSize({ width, height });
        };
        const observer = new ResizeObserver(measure);
        observer.observe(target);
        measure();
        return () => observer.disconnect();
    }, [element]);
    return size;
}
