import { useEffect, useState } from 'preact/hooks';

/** Whether an element is in sight or close to it: what is far down the page need not be kept up to date. */
export function useInSight(element: { readonly current: Element | null }): boolean {
    const [inSight, setInSight] = useState(true);
    useEffect(() => {
        const target = element.current;
        if (target === null) return;
        const observer = new IntersectionObserver((entries) => setInSight(entries.at(-1)!.isIntersecting), {
            rootMargin: '150px',
        });
        observer.observe(target);
        return () => observer.disconnect();
    }, [element]);
    return inSight;
}
