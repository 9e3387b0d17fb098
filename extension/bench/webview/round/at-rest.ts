/** So long nothing has changed before it counts as a rest, ms. */
const REST = 400;

/** Calls back when nothing has been typed for a while and the page has nothing else to do; answers how to stop that. */
export function atRest(then: () => void): () => void {
    let idle = 0;
    const timer = setTimeout(() => {
        idle = requestIdleCallback(then, { timeout: 1000 });
    }, REST);
    return () => {
        clearTimeout(timer);
        if (idle !== 0) cancelIdleCallback(idle);
    };
}
