#pragma once

#include <QString>
#include <QStringList>

#include "device/report.h"
#include "device/usagenames.h"

/// Bytes written in hexadecimal, and decoded values as text, for rows of tests.
inline std::vector<std::uint8_t> bytesOf(const QString& hex) {
    const QByteArray raw = QByteArray::fromHex(hex.toLatin1());
    return {raw.begin(), raw.end()};
}

/// "X=5"; a clamped value "X=5>4", a null one "X=5>null"; an array "[button 3]".
inline QString textOf(const flowhand::Descriptor& descriptor, const flowhand::ReportValues& values) {
    QStringList words;
    for (const flowhand::ElementValue& value : values.elements) {
        QString word = QString::fromStdString(flowhand::usageName(descriptor.elements[value.element].usage)) + "=" +
                       QString::number(value.raw);
        if (!value.value)
            word += ">null";
        else if (*value.value != value.raw)
            word += ">" + QString::number(*value.value);
        words << word;
    }
    for (const flowhand::ArrayValue& array : values.arrays) {
        QStringList usages;
        for (const flowhand::Usage usage : array.usages)
            usages << QString::fromStdString(flowhand::usageName(usage));
        words << "[" + usages.join(", ") + "]";
    }
    return words.join(" ");
}

/// "X=5 hat 1=null": what a report changed.
inline QString textOf(const flowhand::ReportDecoder& decoder, const std::vector<flowhand::InputChange>& changes) {
    QStringList words;
    for (const flowhand::InputChange& change : changes)
        words << QString::fromStdString(decoder.inputs()[change.input].name) + "=" +
                     (change.isNull ? QString("null") : QString::number(change.raw));
    return words.join(" ");
}
