import { useEffect, useState } from 'preact/hooks';

const LASTS = 2200; // ms

/** Where the turning over stands, 0 to 1: played, or moved by hand. Without motion it jumps. */
export function useTurning() {
    const [at, scrub] = useState(0);
    const [target, setTarget] = useState<number | undefined>(undefined);

    useEffect(() => {
        if (target === undefined) return;
        let frame = 0;
        let before: number | undefined;
        const step = (now: number) => {
            const moved = before === undefined ? 0 : (now - before) / LASTS;
            before = now;
            scrub((place) => {
                const next = target > place ? Math.min(place + moved, target) : Math.max(place - moved, target);
                if (next === target) setTarget(undefined);
                return next;
            });
            frame = requestAnimationFrame(step);
        };
        frame = requestAnimationFrame(step);
        return () => cancelAnimationFrame(frame);
    }, [target]);

    const play = () => {
        const end = at < 1 ? 1 : 0;
        if (prefersStillness()) scrub(end);
        else setTarget(end);
    };
    const byHand = (place: number) => {
        setTarget(undefined);
        scrub(place);
    };
    return { at, scrub: byHand, play, playing: target !== undefined };
}

/** The system's wish, or the editor's own setting, which it writes on the page's body. */
function prefersStillness(): boolean {
    return matchMedia('(prefers-reduced-motion: reduce)').matches || document.body.classList.contains('vscode-reduce-motion');
}
