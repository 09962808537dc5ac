#pragma once

#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "presenter/runmaker.h"

namespace flowhand {

/// Where a flight begins, with which step, and how fast its aircraft moves: as its file has it, or as the pilot picks.
/// Place and step go back to the file's with another flight; the pace stays. GUI thread.
class StartPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(flowhand::RowModel* places READ places CONSTANT)
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)
    Q_PROPERTY(flowhand::RowModel* paces READ paces CONSTANT)
    /// The pilot is at it.
    Q_PROPERTY(bool editing READ isEditing WRITE setEditing NOTIFY changed)
    Q_PROPERTY(bool fed READ isFed NOTIFY changed)
    Q_PROPERTY(QString words READ words NOTIFY changed)
    /// Something is not as the flight's file has it.
    Q_PROPERTY(bool picked READ isPicked NOTIFY changed)
    Q_PROPERTY(QString stepTitle READ stepTitle NOTIFY changed)
    Q_PROPERTY(int slowness READ slowness NOTIFY changed)

public:
    explicit StartPresenter(QObject* parent);

    /// Another flight is looked at. `places` are those of its practice aircraft.
    void show(const FlightChoice& choice, const std::vector<StartPlace>& places);
    /// What was picked. A feed moves the aircraft its own way, scripted hands begin at the beginning.
    void apply(FlightChoice& choice) const;

    /// A feed moves the aircraft: then place and pace are its own.
    void setFed(bool isFed);
    Q_INVOKABLE void pickPlace(int row);
    Q_INVOKABLE void pickStep(int row);
    Q_INVOKABLE void pickPace(int row);

    [[nodiscard]] RowModel* places() { return &m_places; }
    [[nodiscard]] RowModel* steps() { return &m_steps; }
    [[nodiscard]] RowModel* paces() { return &m_paces; }
    [[nodiscard]] bool isEditing() const { return m_isEditing; }
    void setEditing(bool isEditing);
    [[nodiscard]] bool isPicked() const { return m_step > 0 || (!m_isFed && (m_place > 0 || m_pace > 0)); }
    [[nodiscard]] bool isFed() const { return m_isFed; }
    /// "Stand", "V1, with “Rotate”, 2 times slower".
    [[nodiscard]] QString words() const;
    /// Of the step to begin with; empty: the first.
    [[nodiscard]] QString stepTitle() const;
    [[nodiscard]] int slowness() const;

Q_SIGNALS:
    void changed();

private:
    void showRows();

    FlightChoice m_choice;
    std::vector<std::string> m_names; ///< of the places
    int m_place = 0;                  ///< 0: as the file has it
    int m_step = 0;                   ///< 0: the first
    int m_pace = 0;
    bool m_isEditing = false;
    bool m_isFed = false;
    RowModel m_places, m_steps, m_paces;
};

} // namespace flowhand
