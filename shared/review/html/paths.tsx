/** Ids of shapes as they stand in the page. */
export function pathId(id: string): string {
    return `shape-${id.replace(/[^\w-]/g, '')}`;
}

/** A shape of the page's one list, drawn with other paint. */
export function Shape({ id, ...paint }: { id: string } & Readonly<Record<string, string | number>>) {
    return <use href={`#${pathId(id)}`} fill-rule="evenodd" {...paint} />;
}

/** Every shape once, and the hatches by which what differs is told apart without colour: light between dark, seen on any wood. */
export function Definitions({ paths }: { paths: Readonly<Record<string, string>> }) {
    return (
        <svg class="defs" aria-hidden="true">
            <defs>
                <Hatch id="differs" turn={45} paint="#8a1c6b" />
                <Hatch id="gained" turn={45} paint="#0b5d3b" />
                <Hatch id="lost" turn={-45} paint="#a33a12" />
                {Object.entries(paths).map(([id, data]) => (
                    <path key={id} id={pathId(id)} d={data} />
                ))}
            </defs>
        </svg>
    );
}

function Hatch({ id, turn, paint }: { id: string; turn: number; paint: string }) {
    return (
        <pattern id={id} width="1.6" height="1.6" patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
            <rect width="1.6" height="1.6" fill="#fff" fill-opacity="0.6" />
            <rect width="0.8" height="1.6" fill={paint} />
        </pattern>
    );
}
