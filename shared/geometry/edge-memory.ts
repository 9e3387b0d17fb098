/** Memory for the edges of one check, kept for the next: most are small, and there are many. */
interface Memory {
    readonly numbers: Float64Array;
    readonly whole: Int32Array;
    readonly small: Int8Array;
}

let memory = memoryFor(1024);
const mostKept = 8192;

function memoryFor(edges: number): Memory {
    return { numbers: new Float64Array(6 * edges), whole: new Int32Array(edges), small: new Int8Array(3 * edges) };
}

export function roomFor(edges: number): Memory {
    if (edges <= memory.whole.length) return memory;
    const more = memoryFor(2 * edges);
    if (edges <= mostKept) memory = more;
    return more;
}
