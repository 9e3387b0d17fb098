export interface ManualPage {
    /** Of its file, without the ending. */
    readonly name: string;
    readonly label: string;
    readonly detail: string;
}

/** The pages that the manual's index lists, in reading order. */
export function pagesIn(index: string): ManualPage[] {
    return [...index.matchAll(/^(?:-|\d+\.) \[([^\]]+)\]\(([\w-]+)\.md\)([^\n]*)$/gm)].map(([, label, name, more]) => ({
        name: name!,
        label: label!,
        detail: more!
            .replace(/^[:\s]+/, '')
            .replace(/\.$/, '')
            .trim(),
    }));
}

/** The heading of the language's page to which a hover leads, if it has such a link. */
export function anchorIn(hover: string): string | undefined {
    const [, asked] = /\(command:kerfbook\.openManual\?([^)]+)\)/.exec(hover) ?? [];
    const [anchor] = asked === undefined ? [] : (JSON.parse(decodeURIComponent(asked)) as unknown[]);
    return isAnchor(anchor) ? anchor : undefined;
}

/** Whether it can be a heading: what comes with a command may come from anywhere. */
export function isAnchor(anchor: unknown): anchor is string {
    return typeof anchor === 'string' && /^[a-z][a-z-]*(?:-\d+)?$/.test(anchor);
}
