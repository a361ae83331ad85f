import type { Metadata, Viewport } from "next";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { coupleHere } from "./_server/asking";
import { sans, serif } from "./_parts/faces";
import { face } from "./_server/face";
import "./globals.css";

export const viewport: Viewport = { width: "device-width", initialScale: 1, colorScheme: "light dark" };
export const metadata: Metadata = { title: "Marquetry", robots: { index: false, follow: false }, formatDetection: { telephone: false } };

/** Every page is made for the one who asks: the nonce of the page's policy is fresh each time. */
export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  await connection();
  // A couple's pages speak as their own venue does, or as they chose.
  const us = await coupleHere();
  const { locale, say } = us ? { locale: us.booking.venue.locale, say: us.say } : await face();
  return (
    <html lang={locale} className={`${serif.variable} ${sans.variable}`}>
      <body>
        <a className="skip" href="#main">{say("Go to what this page is about")}</a>
        {children}
      </body>
    </html>
  );
}
