package oakum.portal.view;

import java.util.List;

/** Puts a section together: the first few matters, and how many more there are. */
final class Section {
    private static final int MOST = 8;

    private Section() {}

    /** All of them, where one page must hold them. */
    static StartPage.StartSection whole(
            String title, String aside, List<StartPage.StartMatter> matters, String nothing) {
        return new StartPage.StartSection(title, aside, matters, nothing);
    }

    static StartPage.StartSection of(String title, String aside, List<StartPage.StartMatter> matters, String nothing) {
        if (matters.size() <= MOST) {
            return whole(title, aside, matters, nothing);
        }
        String shown = "the first " + MOST + " of " + matters.size();
        return new StartPage.StartSection(
                title, aside.isEmpty() ? shown : aside + " · " + shown, matters.subList(0, MOST), nothing);
    }
}
