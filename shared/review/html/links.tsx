import { type ComponentChildren, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Where } from '../../quantity/where';

/** Addresses by which a page leads back into the text and to the rules. A page for everywhere has none. */
export interface Links {
    place(where: Where): string;
    rule(id: string): string;
}

export const LinksHere = createContext<Links | undefined>(undefined);

/** Words that lead to their place in the text, where there is one and the page can. */
export function ToPlace({ where, children }: { where: Where | undefined; children: ComponentChildren }) {
    const links = useContext(LinksHere);
    if (links === undefined || where === undefined) return <>{children}</>;
    return <a href={links.place(where)}>{children}</a>;
}

/** A rule's name, which leads to its explanation. */
export function RuleName({ id }: { id: string }) {
    const links = useContext(LinksHere);
    return links === undefined ? (
        <code>{id}</code>
    ) : (
        <a href={links.rule(id)}>
            <code>{id}</code>
        </a>
    );
}
