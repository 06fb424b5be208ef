// Parts of an object that are worked out when they are first looked at, and then kept.

/** How each part is worked out from what the object was made of. */
export type Makers<Source, Later extends object> = { readonly [K in keyof Later]: (source: Source) => Later[K] };

/**
 * Gives objects parts that are worked out late: listed and copied like any other part. All objects of one call share
 * their getters, which V8 keeps as quick as plain parts; a getter written for each object would make each a slow one.
 */
export function withLater<Source extends object, Later extends object>(
  makers: Makers<Source, Later>,
): <Own extends object>(own: Own, source: Source) => Own & Later {
  const made = new WeakMap<object, { readonly source: Source; readonly parts: Partial<Later> }>();
  const names = Object.keys(makers) as (keyof Later & string)[];
  const getters = names.map((name) => ({
    enumerable: true,
    configurable: true,
    get(this: object): unknown {
      const { source, parts } = made.get(this) as { source: Source; parts: Partial<Later> };
      if (!(name in parts)) parts[name] = makers[name](source);
      return parts[name];
    },
  }));
  return (own, source) => {
    made.set(own, { source, parts: {} });
    for (const [k, name] of names.entries()) Object.defineProperty(own, name, getters[k] as PropertyDescriptor);
    return own as typeof own & Later;
  };
}
