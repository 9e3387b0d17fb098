import { type INode, parseSync } from 'svgson';
import { holder, type NormalForm } from './normal-form';

/** An element of the file, after entities and prefixes are out of the way. */
export interface SvgElement {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
    readonly children: readonly SvgElement[];
    readonly parent: SvgElement | undefined;
    /** Its place among its parent's children, from 0. */
    readonly index: number;
    /** Where its `<` stands in the file, in UTF-16 units. */
    readonly offset: number;
    /** The text directly inside, kept for style sheets only. */
    readonly text: string;
}

export interface SvgTree {
    readonly root: SvgElement;
    /** The first element of each id. */
    readonly byId: ReadonlyMap<string, SvgElement>;
    /** Every element in document order. */
    readonly all: readonly SvgElement[];
}

interface Growing extends SvgElement {
    readonly children: SvgElement[];
}

/** Builds the tree, puts held values back, and gives every element its place in the file. */
export function buildTree({ text, held, offsets }: NormalForm): SvgTree {
    const restore = (value: string) => (value.startsWith(holder) ? (held[Number(value.slice(1))] ?? '') : value);
    const byId = new Map<string, SvgElement>();
    const all: SvgElement[] = [];
    let root: SvgElement | undefined;
    // Depth first, children in order; by hand, so that depth costs no stack.
    const waiting: { node: INode; parent: Growing | undefined }[] = [{ node: parseSync(text), parent: undefined }];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        const { node, parent } = next;
        const attributes: Record<string, string> = Object.create(null);
        for (const name in node.attributes) attributes[name] = restore(node.attributes[name]!);
        const element: Growing = {
            name: node.name,
            attributes,
            children: [],
            parent,
            index: parent?.children.length ?? 0,
            offset: offsets[all.length] ?? 0,
            text: restore(node.children.find((child) => child.type === 'text')?.value ?? ''),
        };
        all.push(element);
        parent?.children.push(element);
        root ??= element;
        const id = attributes.id;
        if (id !== undefined && id !== '' && !byId.has(id)) byId.set(id, element);
        for (let i = node.children.length - 1; i >= 0; i--) {
            const child = node.children[i]!;
            if (child.type === 'element') waiting.push({ node: child, parent: element });
        }
    }
    return { root: root!, byId, all };
}
