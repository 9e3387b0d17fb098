/** How large the recipe wants the art, in mm, and how far in mm flattened curves may stray from the true ones. */
export interface ArtWish {
    readonly width?: number;
    readonly height?: number;
    readonly tolerance?: number;
}

/** The art's size in mm under a wish: one side alone keeps the proportions. Wishes that are no size count as none. */
export function wishedSize(width: number, height: number, wish: ArtWish): { width: number; height: number } {
    const wishWidth = usable(wish.width);
    const wishHeight = usable(wish.height);
    if (wishWidth !== undefined) return { width: wishWidth, height: wishHeight ?? (height * wishWidth) / width };
    if (wishHeight !== undefined) return { width: (width * wishHeight) / height, height: wishHeight };
    return { width, height };
}

function usable(value: number | undefined): number | undefined {
    return value !== undefined && Number.isFinite(value) && value > 0 ? value : undefined;
}
