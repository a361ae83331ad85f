import { ENGLISH, type Say } from "@/lib/words/pages/say";

export const STEPS = [
  { id: "guests", title: "Guests" },
  { id: "ceremony", title: "Ceremony" },
  { id: "meal", title: "Meal and tables" },
  { id: "music", title: "Music and dancing" },
  { id: "displays", title: "Displays" },
  { id: "extras", title: "Extras" },
  { id: "layout", title: "Your layout" },
  { id: "send", title: "Check and send" },
] as const;
export type StepName = (typeof STEPS)[number]["id"];

export const isStep = (s: string): s is StepName => STEPS.some((x) => x.id === s);
export const stepNumber = (id: StepName): number => STEPS.findIndex((s) => s.id === id) + 1;
export function stepTitle(id: StepName, say: Say = ENGLISH): string {
  const step = STEPS.find((s) => s.id === id);
  return step ? say(step.title) : id;
}
export const stepAfter = (id: StepName): StepName | null => STEPS[stepNumber(id)]?.id ?? null;
export const stepBefore = (id: StepName): StepName | null => STEPS[stepNumber(id) - 2]?.id ?? null;

export type StepLine = { readonly id: StepName; readonly said: string; readonly state: "done" | "open" | "later" };
const STATE_WORD = { done: "Answered", open: "To do", later: "Comes after" } as const;

/** The way through, as a numbered list: what is answered, in the couple's own words. */
export function StepList({ lines, say }: { readonly lines: readonly StepLine[]; readonly say: Say }) {
  return (
    <ol className="steps">
      {lines.map((l) => (
        <li key={l.id}>
          <span className="n" aria-hidden="true">{stepNumber(l.id)}</span>
          <span>{l.state === "later" ? <span className="font-serif text-[1.125rem]">{stepTitle(l.id, say)}</span> : <a href={`/request/${l.id}`}>{stepTitle(l.id, say)}</a>}<span className="said">{l.said}</span></span>
          <span className={l.state === "open" ? "state-word small" : "state-word small sec"}>{say(STATE_WORD[l.state])}</span>
        </li>
      ))}
    </ol>
  );
}
