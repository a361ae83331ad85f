/** On paper only: what a drawing-office sheet says of itself. */
export function TitleBlock({ cells }: { readonly cells: readonly { readonly name: string; readonly value: string }[] }) {
  return (
    <dl className="title-block">
      {cells.map((c) => <div key={c.name}><dt>{c.name}</dt><dd>{c.value}</dd></div>)}
    </dl>
  );
}
