// The menu of the view: light and dark, size, what else can be seen.

#include "editor/MainWindow.h"

namespace coldiron
{
void MainWindow::viewMenu()
{
    juce::PopupMenu items;
    items.setLookAndFeel (&lookAndFeel);
    items.addItem (1, "Light", true, ! isDark());
    items.addItem (2, "Dark", true, isDark());
    items.addSeparator();
    const float now = holder.scaleNow ? holder.scaleNow() : 1.0f;
    for (int percent : { 80, 100, 125, 150, 200 })
        items.addItem (percent, juce::String (percent) + " %", true, juce::roundToInt (now * 100) == percent);
    items.addSeparator();
    items.addItem (3, "Wiring (W)");
    items.addItem (4, "Keys (F1)");
    items.addItem (5, "Open a take", true);
    if (holder.onSoundDevice)
        items.addItem (6, "Sound device");
    const juce::Component::SafePointer<MainWindow> self (this);
    items.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&header.view),
                         [self] (int choice)
                         {
                             if (self == nullptr || choice == 0)
                                 return;
                             if (choice <= 2)
                             {
                                 self->setDark (choice == 2);
                                 if (self->holder.onDark)
                                     self->holder.onDark (choice == 2);
                             }
                             else if (choice == 3)
                                 self->sheet.showWiring (true);
                             else if (choice == 4)
                                 self->sheet.showKeys (true);
                             else if (choice == 5)
                                 self->files.openTake();
                             else if (choice == 6)
                                 self->holder.onSoundDevice();
                             else if (self->holder.onScale)
                                 self->holder.onScale (static_cast<float> (choice) / 100.0f);
                         });
}
}
