/** Hears how far the pointer has gone since it went down, in px, until it is let go. */
export function followPointer(
    target: Element,
    { pointerId, clientX, clientY }: PointerEvent,
    moved: (x: number, y: number) => void,
    letGo?: () => void,
): void {
    target.setPointerCapture(pointerId);
    const follow = (event: Event) => {
        if (event instanceof PointerEvent) moved(event.clientX - clientX, event.clientY - clientY);
    };
    target.addEventListener('pointermove', follow);
    target.addEventListener(
        'lostpointercapture',
        () => {
            target.removeEventListener('pointermove', follow);
            letGo?.();
        },
        { once: true },
    );
}
