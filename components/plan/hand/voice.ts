"use client";
import { createContext, useContext } from "react";
import { handVoice, type HandVoice } from "@/lib/words/hand";

/** Who speaks of the layout under the hand: the couple's own language; at the desk English. */
export const HandSays = createContext<HandVoice>(handVoice("en-GB"));
export const useHandSay = (): HandVoice => useContext(HandSays);
