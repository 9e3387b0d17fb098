const svg = 'http://www.w3.org/2000/svg';
const xlink = 'http://www.w3.org/1999/xlink';

/**
 * Which names are SVG's, whatever prefix they carry. A fifth of the files in the wild forget to
 * declare the namespace, so a name without one counts as SVG's, and so does an undeclared `svg:`.
 */
export class Namespaces {
    private readonly scopes: ReadonlyMap<string, string>[] = [
        new Map([
            ['svg', svg],
            ['xlink', xlink],
        ]),
    ];

    /** Enters an element: its own declarations hold for itself and what is in it. */
    enter(attributes: Readonly<Record<string, string>>): void {
        const outer = this.scopes.at(-1)!;
        let scope: Map<string, string> | undefined;
        for (const name in attributes) {
            if (!name.startsWith('xmlns')) continue;
            const prefix = name === 'xmlns' ? '' : name[5] === ':' ? name.slice(6) : undefined;
            if (prefix === undefined) continue;
            scope ??= new Map(outer);
            scope.set(prefix, attributes[name]!.trim());
        }
        this.scopes.push(scope ?? outer);
    }

    leave(): void {
        this.scopes.pop();
    }

    /** The element's name without its prefix; undefined if it is not SVG's. */
    element(name: string): string | undefined {
        const colon = name.indexOf(':');
        const uri = this.scopes.at(-1)!.get(colon < 0 ? '' : name.slice(0, colon));
        if (uri === undefined ? colon >= 0 : uri !== svg && uri !== '') return undefined;
        return name.slice(colon + 1);
    }

    /** The attribute's name as the rest of the room knows it (`xlink:href` is `href`); undefined if it means nothing to SVG. */
    attribute(name: string): string | undefined {
        const colon = name.indexOf(':');
        if (colon < 0) return name === 'xmlns' ? undefined : name;
        const prefix = name.slice(0, colon);
        if (this.scopes.at(-1)!.get(prefix) !== xlink) return undefined;
        return name.slice(colon + 1) === 'href' ? 'href' : undefined;
    }
}
