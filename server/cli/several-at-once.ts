/**
 * The answers of all, in their order, with so many of them asked for at a time.
 * @throws what the first that fails throws, once no other is under way
 */
export async function severalAtOnce<Item, Answer>(
    items: readonly Item[],
    most: number,
    ask: (item: Item) => Promise<Answer>,
): Promise<Answer[]> {
    const answers: Answer[] = [];
    const failures: unknown[] = [];
    let next = 0;
    const goOn = async (): Promise<void> => {
        while (next < items.length && failures.length === 0) {
            const index = next++;
            try {
                answers[index] = await ask(items[index]!);
            } catch (error) {
                failures.push(error);
            }
        }
    };
    await Promise.all(Array.from({ length: Math.min(most, items.length) }, goOn));
    if (failures.length > 0) throw failures[0];
    return answers;
}
