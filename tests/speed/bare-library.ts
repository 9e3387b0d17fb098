/** clipper2-wasm by its plainest calls, as somebody would use it who has whole numbers at hand. */
export interface Bare {
    union(rings: readonly Float64Array[]): Float64Array[];
    difference(subjects: readonly Float64Array[], clips: readonly Float64Array[]): Float64Array[];
    intersection(subjects: readonly Float64Array[], clips: readonly Float64Array[]): Float64Array[];
    offset(rings: readonly Float64Array[], delta: number, arcTolerance: number): Float64Array[];
}

// biome-ignore lint/suspicious/noExplicitAny: the package's own types lean on all of Emscripten's.
type Library = any;

export async function loadBare(binary: Uint8Array): Promise<Bare> {
    const { default: start } = await import('clipper2-wasm/dist/umd/clipper2z.js');
    const library: Library = await start({ wasmBinary: binary });
    const into = (rings: readonly Float64Array[]) => {
        const paths = new library.Paths64();
        const path = new library.Path64();
        for (const ring of rings) {
            const numbers = new BigInt64Array((ring.length / 2) * 3);
            for (let i = 0; i < ring.length; i += 2) {
                numbers[1.5 * i] = BigInt(ring[i]!);
                numbers[1.5 * i + 1] = BigInt(ring[i + 1]!);
            }
            path.assign(numbers);
            paths.push_back(path);
        }
        path.delete();
        return paths;
    };
    const outOf = (paths: Library) => {
        const rings: Float64Array[] = [];
        for (let k = 0; k < paths.size(); k++) {
            const path = paths.get(k);
            const view: BigInt64Array = path.view();
            const ring = new Float64Array((view.length / 3) * 2);
            for (let i = 0; i < ring.length; i += 2) {
                ring[i] = Number(view[1.5 * i]);
                ring[i + 1] = Number(view[1.5 * i + 1]);
            }
            path.delete();
            rings.push(ring);
        }
        paths.delete();
        return rings;
    };
    const between = (operation: string, subjects: readonly Float64Array[], clips: readonly Float64Array[]) => {
        const subject = into(subjects);
        const clip = into(clips);
        const answer = library[operation](subject, clip, library.FillRule.NonZero);
        subject.delete();
        clip.delete();
        return outOf(answer);
    };
    return {
        union(rings) {
            const paths = into(rings);
            const answer = library.UnionSelf64(paths, library.FillRule.NonZero);
            paths.delete();
            return outOf(answer);
        },
        difference: (subjects, clips) => between('Difference64', subjects, clips),
        intersection: (subjects, clips) => between('Intersect64', subjects, clips),
        offset(rings, delta, arcTolerance) {
            const paths = into(rings);
            const answer = library.InflatePaths64(paths, delta, library.JoinType.Round, library.EndType.Polygon, 2, arcTolerance);
            paths.delete();
            return outOf(answer);
        },
    };
}
