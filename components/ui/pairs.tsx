import type { ReactNode } from "react";

export type Pair = { readonly name: ReactNode; readonly value: ReactNode; readonly more?: ReactNode; readonly key?: string };

export function Pairs({ pairs }: { readonly pairs: readonly Pair[] }) {
  return (
    <dl className="pairs">
      {pairs.map((p, i) => (
        <div key={p.key ?? i}>
          <dt>{p.name}</dt>
          <dd>{p.value}{p.more && <span>{p.more}</span>}</dd>
        </div>
      ))}
    </dl>
  );
}
