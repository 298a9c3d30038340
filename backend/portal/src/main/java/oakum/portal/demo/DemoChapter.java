package oakum.portal.demo;

/** One piece of the demo's history; chapters are told in their order. */
interface DemoChapter {
    void tell(DemoFirm.Telling telling);
}
