import { Frame } from "@/components/ui/frame";
import { face } from "@/app/_server/face";

/** An address of the desk that leads nowhere: a booking that is not here, a page of no venue. Whoever is not of the desk is sent to its door by the link. */
export default async function NoDeskPage() {
  return (
    <Frame house={await face()} home="/desk">
      <h1 className="mt-4">There is no page at this address</h1>
      <div className="prose mt-4">
        <p className="lead">It may have been typed with a slip, or name a booking, a room or a letter that is not here.</p>
        <p>Nothing is lost or changed by it. Find a booking by name or reference in <a href="/desk">the queue</a>.</p>
      </div>
    </Frame>
  );
}
