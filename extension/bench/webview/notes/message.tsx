/** A sentence in which words of the language stand between backticks. */
export function Message({ text }: { text: string }) {
    return (
        <>
            {text.split('`').map((part, index) => (
                <span key={index} class={index % 2 === 1 ? 'word' : undefined}>
                    {part}
                </span>
            ))}
        </>
    );
}
