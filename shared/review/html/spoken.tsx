import { oneLine } from '../one-line';

/** What the program says: names between back quotes stand as code. */
export function Spoken({ text }: { text: string }) {
    return (
        <>
            {oneLine(text)
                .split(/`([^`]+)`/)
                .map((part, index) => (index % 2 === 1 ? <code key={String(index)}>{part}</code> : part))}
        </>
    );
}
